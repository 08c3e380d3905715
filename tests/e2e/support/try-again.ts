// A busy machine can make one click of a thousand too late for the page. What fails is tried once more, and its first failure is printed all the same.
jest.retryTimes(1, { logErrorsBeforeRetry: true });
