// Prints 'PASSED FAILED' from the JSON report of the test runner. A file that could not even be loaded counts as one failure.
import { readFileSync } from 'node:fs';

const report = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const broken = report.testResults.filter(
  (file) => file.status === 'failed' && file.assertionResults.length === 0,
);
process.stdout.write(`${report.numPassedTests} ${report.numFailedTests + broken.length}\n`);
