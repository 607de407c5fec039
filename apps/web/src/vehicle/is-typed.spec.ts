import { describe, expect, it } from '@jest/globals';

import { isTyped } from './is-typed.js';

describe('the name that is typed before something is erased for good', () => {
  it('is right whatever the capitals and blanks, and wrong in any letter or with a part missing', () => {
    expect(isTyped('Viktor Ashby', ' viktor  ashby ')).toBe(true);
    expect(isTyped('Viktor Ashby', 'Viktor')).toBe(false);
    expect(isTyped('Viktor Ashby', 'Victor Ashby')).toBe(false);
    expect(isTyped('Viktor Ashby', '')).toBe(false);
  });
});
