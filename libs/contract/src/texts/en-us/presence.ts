import { presenceEnGb } from '../en-gb/presence.js';

export const presenceEnUs = { ...presenceEnGb } as const;
