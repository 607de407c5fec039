// A row of 68 px: 14 for ticks and the flag, 32 for the blocks, 22 for the stitched line.
export const rowHeight = 68;
export const bodyTop = 16;
export const bodyHeight = 32;
export const bodyBottom = bodyTop + bodyHeight;
export const bodyMiddle = bodyTop + bodyHeight / 2;
/** The stitched line runs along this y, clear of the blocks. */
export const stitchedY = bodyBottom + 9;
