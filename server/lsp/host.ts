// What the language server needs from the place it runs in. The two entries (node.ts, worker.ts) each bring one.

export interface Host {
  readonly place: 'Node' | 'web worker';
  /** of this package, as the manifest writes it */
  readonly version: string;
}
