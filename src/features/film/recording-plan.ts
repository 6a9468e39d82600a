/** How high each row of a recording is: what there is room for, shared out. px */
export type RecordingRow = 'span' | 'parabola' | 'momentum' | 'angle' | 'head' | 'somersault' | 'tilt' | 'twist';

export interface RowBox {
  readonly y: number;
  readonly height: number;
}

const SHARES: Readonly<Record<RecordingRow, { readonly share: number; readonly least: number }>> = {
  span: { share: 0, least: 34 },
  parabola: { share: 1, least: 36 },
  momentum: { share: 1, least: 36 },
  angle: { share: 1.9, least: 60 },
  head: { share: 0, least: 22 },
  somersault: { share: 1.2, least: 44 },
  tilt: { share: 1.2, least: 44 },
  twist: { share: 1.2, least: 44 },
};
const CHECKS: readonly RecordingRow[] = ['span', 'parabola', 'momentum', 'angle'];
const ERRORS: readonly RecordingRow[] = ['head', 'somersault', 'tilt', 'twist'];
/** a share is no more than this, px: a taller page does not make it easier to read */
const MOST = 92;

/** `title`: px over each row, where titles have no room beside them */
export function planRows(
  height: number,
  hasErrors: boolean,
  title = 0,
): { boxes: ReadonlyMap<RecordingRow, RowBox>; height: number } {
  const names = hasErrors ? [...CHECKS, ...ERRORS] : CHECKS;
  const least = names.reduce((sum, name) => sum + SHARES[name].least, 0);
  const shares = names.reduce((sum, name) => sum + SHARES[name].share, 0);
  const each = Math.min(Math.max(height - least - title * names.length, 0) / shares, MOST - SHARES.parabola.least);
  const boxes = new Map<RecordingRow, RowBox>();
  let y = 0;
  for (const name of names) {
    const own = Math.round(SHARES[name].least + SHARES[name].share * each);
    y += title;
    boxes.set(name, { y, height: own });
    y += own;
  }
  return { boxes, height: y };
}
