import { bayOutagesEnGb } from '../en-gb/bay-outages.js';

export const bayOutagesEnUs = { ...bayOutagesEnGb } as const;
