// How an assistant's changes are looked at before they are taken over: by hand, and by a machine that does it for every pull request. The lines
// that call setwright are run by test/cli/pull-request.test.ts.
import { fenced } from './markdown.ts';

const workflow = `name: Plays
on: pull_request
permissions:
  contents: read
  pull-requests: write
  security-events: write
jobs:
  review:
    runs-on: ubuntu-latest
    env:
      SETWRIGHT: https://example.org/setwright.git # the address that you have Setwright from
    steps:
      - uses: actions/checkout@v4
        with:
          fetch-depth: 0 # with its history: where the branch began is asked of git
      - name: Build Setwright
        run: |
          git clone --depth 1 "$SETWRIGHT" "$RUNNER_TEMP/setwright"
          cd "$RUNNER_TEMP/setwright"
          npm run build
          npm link

      # What is wrong, at its lines in the review.
      - run: setwright check plays --sarif > "$RUNNER_TEMP/plays.sarif" || test $? -eq 1
      - uses: github/codeql-action/upload-sarif@v3
        with:
          sarif_file: \${{ runner.temp }}/plays.sarif

      # What has changed, as a comment; the pictures to fetch from the run's page.
      - run: setwright compare --since "origin/$GITHUB_BASE_REF" plays --markdown --pictures "$RUNNER_TEMP/changes" > "$RUNNER_TEMP/changes.md"
      - uses: actions/upload-artifact@v4
        with:
          name: changes
          path: \${{ runner.temp }}/changes
      - run: gh pr comment "$NUMBER" --edit-last --body-file "$RUNNER_TEMP/changes.md" || gh pr comment "$NUMBER" --body-file "$RUNNER_TEMP/changes.md"
        env:
          GH_TOKEN: \${{ github.token }}
          NUMBER: \${{ github.event.number }}

      # Last, so that the rest has been said: red where a play cannot work.
      - run: setwright check plays --no-hints`;

export const pullRequest = [
  '## In a pull request',
  'An assistant has changed plays on a branch of their own. What his changes mean, in lines, seconds, sections and mistakes; `main` is the branch he started from, `plays` the folder of the playbook:',
  fenced('setwright compare --since main plays', 'text'),
  'What others have done to `main` meanwhile is not told: compared is with `main` as it was when his branch began. `setwright compare --since main --until his-branch plays` does not even need his branch to lie in your folder, and `--pictures changes` draws each changed play before and after, beside each other on the page `changes/index.html`.',
  'A machine does the same for every pull request. This file, as `.github/workflows/plays.yml` in the repository of the playbook, has each mistake shown at its line, with the manual entry of its check (SARIF 2.1.0, an OASIS standard), a comment with a table of the changed plays and what they need on the clock before and after, and the pictures to look at:',
  fenced(workflow, 'yaml'),
  'Tried are the lines that call `setwright`, in a repository with two branches. What belongs to the service itself, the lines with `uses` and `gh`, is written as its users write it and was not tried here: have a first pull request of your own look whether it does as it should. The service shows mistakes at their lines where its code scanning is on (for public repositories it can be), and lets a pull request from somebody else’s copy of the repository write no comment. Another service needs the same three calls.',
].join('\n\n');
