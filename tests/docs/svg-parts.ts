/** What the drawn pages share: colours by the names of the scene's tokens, text, the whole picture. */
const COLOURS: Readonly<Record<string, string>> = {
  air: '#fcfdfb',
  trunk: '#5e7678',
  'limb-l': '#12282c',
  'limb-r': '#cdd8d6',
  'limb-line': '#4f686a',
  skin: '#cdd8d6',
  hair: '#12282c',
  tape: '#fcfdfb',
  som: '#144e9e',
  tilt: '#00776e',
  twist: '#bf360c',
  ink: '#12282c',
};

export const n = (x: number): string => String(Math.round(x * 10) / 10);

export const text = (x: number, y: number, what: string, colour = 'ink', anchor = 'middle', weight = 400): string =>
  `<text x="${n(x)}" y="${n(y)}" text-anchor="${anchor}" fill="var(--${colour})" font-weight="${weight}" stroke="var(--air)" stroke-width="3" paint-order="stroke" stroke-linejoin="round">${what}</text>`;

export function picture(width: number, height: number, label: string, inner: string): string {
  const tokens = Object.entries(COLOURS).map(([name, value]) => `--${name}:${value}`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${label}" style="${tokens.join(';')}" font-family="system-ui, sans-serif" font-size="13"><rect width="${width}" height="${height}" fill="var(--air)"/>${inner}</svg>\n`;
}
