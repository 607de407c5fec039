// Measures colours for tokens.spec.ts: contrast as WCAG 2.2 defines it, and how far two colours lie apart (CIEDE2000) for
// normal vision and for the three kinds of colour blindness.

/** Linear-light sRGB, each channel 0 to 1. */
type Linear = readonly [red: number, green: number, blue: number];
/** CIE L*a*b* under D65. */
export type Lab = readonly [lightness: number, a: number, b: number];

const toLinear = (encoded: number): number =>
  encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;

/** `#rrggbb` as linear light. Refuses any other writing. */
const linear = (hex: string): Linear => {
  const channels = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (channels === null) throw new RangeError(`"${hex}" is not written as #rrggbb.`);
  const [red, green, blue] = channels.slice(1).map((channel) => toLinear(Number.parseInt(channel, 16) / 255));
  return [red ?? 0, green ?? 0, blue ?? 0];
};

const luminance = ([red, green, blue]: Linear): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** Contrast ratio, 1 to 21 (WCAG 2.2, "contrast ratio"). */
export const contrast = (one: string, other: string): number => {
  const [a, b] = [luminance(linear(one)), luminance(linear(other))];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
};

/** Whole colour blindness as matrices on linear sRGB: Machado, Oliveira and Fernandes 2009, severity 1.0. */
const visions = {
  normal: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;
export type Vision = keyof typeof visions;
export const visionNames = Object.keys(visions) as Vision[];

type Matrix = readonly number[];

const times = (matrix: Matrix, [x, y, z]: Linear): Linear => {
  const row = (at: number): number => (matrix[at] ?? 0) * x + (matrix[at + 1] ?? 0) * y + (matrix[at + 2] ?? 0) * z;
  return [row(0), row(3), row(6)];
};

const xyzOfSrgb = [0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.072175, 0.0193339, 0.119192, 0.9503041];
const d65 = [0.95047, 1, 1.08883] as const;

const seenAs = (hex: string, vision: Vision): Lab => {
  const [red, green, blue] = times(visions[vision], linear(hex)).map((channel) => Math.min(1, Math.max(0, channel)));
  const [x, y, z] = times(xyzOfSrgb, [red ?? 0, green ?? 0, blue ?? 0]);
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const [fx, fy, fz] = [f(x / d65[0]), f(y / d65[1]), f(z / d65[2])];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
};

const degrees = 180 / Math.PI;
const hueOf = (a: number, b: number): number => (a === 0 && b === 0 ? 0 : (Math.atan2(b, a) * degrees + 360) % 360);

const hueDifference = (h1: number, h2: number): number => {
  const difference = h2 - h1;
  if (difference > 180) return difference - 360;
  return difference < -180 ? difference + 360 : difference;
};

const meanHue = (h1: number, h2: number): number => {
  if (Math.abs(h1 - h2) <= 180) return (h1 + h2) / 2;
  return h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
};

/** CIEDE2000 (Sharma, Wu and Dalal 2005), with all three weights 1. */
export const ciede2000 = ([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number => {
  const meanChroma7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7;
  const stretch = 1.5 - 0.5 * Math.sqrt(meanChroma7 / (meanChroma7 + 25 ** 7));
  const [c1, c2] = [Math.hypot(a1 * stretch, b1), Math.hypot(a2 * stretch, b2)];
  const [h1, h2] = [hueOf(a1 * stretch, b1), hueOf(a2 * stretch, b2)];
  const grey = c1 * c2 === 0;
  const hueTurn = grey ? 0 : hueDifference(h1, h2);
  const hue = grey ? h1 + h2 : meanHue(h1, h2);
  const chroma = (c1 + c2) / 2;
  const fromMiddle = ((l1 + l2) / 2 - 50) ** 2;
  const cosine = (factor: number, shift: number): number => Math.cos((factor * hue + shift) / degrees);
  const t = 1 - 0.17 * cosine(1, -30) + 0.24 * cosine(2, 0) + 0.32 * cosine(3, 6) - 0.2 * cosine(4, -63);
  const light = (l2 - l1) / (1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle));
  const colour = (c2 - c1) / (1 + 0.045 * chroma);
  const turn = (2 * Math.sqrt(c1 * c2) * Math.sin(hueTurn / 2 / degrees)) / (1 + 0.015 * chroma * t);
  const bend = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  const rotation = -Math.sin((2 * bend) / degrees) * 2 * Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));
  return Math.sqrt(light ** 2 + colour ** 2 + turn ** 2 + rotation * colour * turn);
};

/** How far two `#rrggbb` lie apart for an eye; below about 2 they look alike side by side. */
export const distance = (one: string, other: string, vision: Vision): number =>
  ciede2000(seenAs(one, vision), seenAs(other, vision));
