// Prints 'PASSED FAILED' from the JSON report of the test runner. A test that was skipped did not pass, and a file that failed
// without a failed test (it could not be loaded, or tidied up badly) counts as one failure.
import { readFileSync } from 'node:fs';

const { testResults } = JSON.parse(readFileSync(process.argv[2], 'utf8'));
let passed = 0;
let failed = 0;
for (const file of testResults) {
  const bad = file.assertionResults.filter(({ status }) => status !== 'passed').length;
  passed += file.assertionResults.length - bad;
  failed += file.status === 'failed' ? Math.max(bad, 1) : bad;
}
process.stdout.write(`${passed} ${failed}\n`);
