// Made by the build (scripts/player-text.ts): the bundled player of client/preview as text, to be put into a page.
declare module 'virtual:player' {
  /** may stand inside `<script>` as it is */
  export const script: string;
  /** may stand inside `<style>` as it is */
  export const style: string;
}
