// The last line of a CI run: how many tests passed, failed and were skipped, from vitest's report. Ends with 1 when one
// failed, when one was skipped, or when the tests did not run. `node scripts/tally.mjs REPORT STATUS`, STATUS being what
// `npm test` ended with. Plain JavaScript: when nothing could be installed it runs on whatever Node there is.
import { existsSync, readFileSync } from 'node:fs';

/**
 * A file that could not be loaded counts as one failed test, and so does a run that ended badly for another reason.
 * @param {any} report vitest's JSON report; undefined when the run did not come so far
 * @param {number} status
 * @returns {{ passed: number, failed: number, skipped: number }}
 */
export function tally(report, status) {
  const files = report ? report.testResults : [];
  const tests = files.flatMap((file) => file.assertionResults);
  const count = (...kinds) => tests.filter((test) => kinds.includes(test.status)).length;
  const unloadable = files.filter((file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed')).length;
  const passed = count('passed');
  const skipped = count('skipped', 'pending', 'todo', 'disabled');
  const failed = tests.length - passed - skipped + unloadable;
  const unexplained = failed === 0 && (status !== 0 || tests.length === 0);
  return { passed, failed: failed + (unexplained ? 1 : 0), skipped };
}

/**
 * The tests that failed first and passed when tried again, in the words of their names.
 * @param {any} report vitest's JSON report
 * @returns {string[]}
 */
export function triedTwice(report) {
  const tests = report ? report.testResults.flatMap((file) => file.assertionResults) : [];
  return tests.filter((test) => test.status === 'passed' && test.failureMessages?.length > 0).map((test) => test.fullName);
}

if (process.argv[1] && process.argv[1].endsWith('tally.mjs')) {
  const [, , file, status] = process.argv;
  const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
  const { passed, failed, skipped } = tally(report, Number(status));
  if (!report) console.log('The tests did not run; what went wrong stands above.');
  for (const name of triedTwice(report)) console.log(`Needed a second try: ${name}`);
  if (skipped > 0) console.log('A skipped test counts as a failure here.');
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  process.exitCode = failed === 0 && skipped === 0 ? 0 : 1;
}
