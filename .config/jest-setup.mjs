// jest 30 takes `testTimeout` only for a whole run; each project hands its own over as a global.
import { jest } from '@jest/globals';

jest.setTimeout(globalThis.testTimeoutMs);
