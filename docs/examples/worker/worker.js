// npx esbuild docs/examples/worker/worker.js --bundle --format=iife --alias:elbowroom=./dist/index.js --outfile=docs/examples/worker/worker.bundle.js
import { assessFit, describeFit, InputError } from 'elbowroom';

self.onmessage = ({ data }) => {
  const search = {
    ...data.search,
    onProgress: ({ value, upperBound }) => {
      self.postMessage({ kind: 'progress', value, upperBound });
    },
  };
  try {
    const report = assessFit({ ...data, search });
    self.postMessage({ kind: 'answer', report, words: describeFit(report, { units: 'cm' }) });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    self.postMessage({ kind: 'problems', problems: error.problems });
  }
};
