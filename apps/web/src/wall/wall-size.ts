// wall/ hides what is left of the board when it is read from across the shop. It guarantees that a row fits the distance
// from which it is read, that pages stand still for a fixed time, and that no customer's name is on it.

/** A 16:9 screen's width as a share of its diagonal. */
const widthShare = 16 / Math.hypot(16, 9);
const millimetresPerInch = 25.4;
/** Height of Inter's capitals in its font size. */
const capitalShare = 0.727;
/** Height of capitals as an angle: 20 minutes of arc, the figure of ISO 9241-3 as commonly quoted (20 to 22 preferred). */
const angle = (20 / 60) * (Math.PI / 180);
/** A row is so many times as high as its letters: the strip with its ticks and its stitched line. */
export const rowShare = 1.96;

/** Font size in CSS pixels for a screen of `inches` diagonal, `width` CSS pixels wide, read from `metres`. */
export const wallFont = (width: number, inches: number, metres: number): number => {
  const capital = metres * 1000 * Math.tan(angle);
  const pixelsPerMillimetre = width / (inches * millimetresPerInch * widthShare);
  return (capital / capitalShare) * pixelsPerMillimetre;
};

/** Rows that fit under each other in `height` CSS pixels; at least one. */
export const rowsOnPage = (height: number, font: number): number => Math.max(1, Math.floor(height / (font * rowShare)));
