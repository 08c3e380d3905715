// Ends a test run with one plain line that a person or a machine can read: how many tests passed, failed and were skipped.
module.exports = class CountReporter {
  onRunComplete(_contexts, results) {
    const broken = results.numFailedTests + results.numRuntimeErrorTestSuites;
    console.log(`${results.numPassedTests} passed, ${broken} failed, ${results.numPendingTests} skipped`);
  }
};
