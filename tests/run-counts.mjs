// Reads the runners' JSON reports. A runner that ends with an error, or runs nothing, counts as a failure even when its
// report shows none.
import { readFileSync } from 'node:fs';

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

function settle(passed, failed, skipped, code) {
  const isHidden = failed === 0 && (code !== 0 || passed === 0);
  if (isHidden) console.error(code === 0 ? 'Nothing ran.' : `The runner ended with code ${code}.`);
  return { passed, failed: isHidden ? 1 : failed, skipped };
}

export function countVitest(file, code) {
  const report = readReport(file);
  if (!report) return settle(0, 0, 0, code);
  // a file that does not load has no tests to count
  const broken = report.testResults.filter((r) => r.status === 'failed' && r.assertionResults.length === 0).length;
  const skipped = report.numPendingTests + (report.numTodoTests ?? 0);
  return settle(report.numPassedTests, report.numFailedTests + broken, skipped, code);
}

export function countPlaywright(file, code) {
  const report = readReport(file);
  if (!report) return settle(0, 0, 0, code);
  const { expected, unexpected, flaky, skipped } = report.stats;
  return settle(expected, unexpected + flaky, skipped, code);
}
