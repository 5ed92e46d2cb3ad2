// A vitest reporter that writes what the closing line of `npm test` needs: { passed, failed, skipped: [{ name, reason }] }.
import { writeFileSync } from "node:fs";

export default class Summary {
  onTestRunEnd(testModules, unhandledErrors) {
    const summary = { passed: 0, failed: unhandledErrors.length, skipped: [] };
    for (const testModule of testModules) {
      // A file that could not be loaded, or a hook that threw, fails although no test of it ran.
      summary.failed += testModule.errors().length;
      for (const suite of testModule.children.allSuites()) summary.failed += suite.errors().length;
      for (const test of testModule.children.allTests()) {
        const result = test.result();
        if (result.state === "passed") summary.passed += 1;
        else if (result.state === "failed") summary.failed += 1;
        else
          summary.skipped.push({
            name: `${testModule.relativeModuleId} > ${test.fullName}`,
            reason: result.note ?? "no reason given",
          });
      }
    }
    writeFileSync(process.env.FERRULE_TEST_SUMMARY, JSON.stringify(summary));
  }
}
