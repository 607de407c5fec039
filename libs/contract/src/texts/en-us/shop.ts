import { shopEnGb } from '../en-gb/shop.js';

export const shopEnUs = { ...shopEnGb } as const;
