/** A posed motion as CSV, with the columns that the frames of a flight have for the same things (docs/frames.md); blank where not known. SI, radians. */
import { nameCell, numberCell, originLines, type TableStyle } from '../files/table-style.ts';
import type { PosedMotion } from './posed.ts';

/** In pieces of a row each, where it is from and the names first. Lines end in "\n". */
export function* formatRecorded(posed: PosedMotion, style: TableStyle = {}): Generator<string> {
  const { body, n, t, p_WBo_W, quat_WB, angles } = posed;
  const na = body.angles.length;
  const names = ['t', 'px', 'py', 'pz', 'qw', 'qx', 'qy', 'qz', ...body.angles.map(({ name }) => `angle_${name}_rad`)];
  yield `${originLines(style)}${names.map((name) => nameCell(name, style)).join(',')}\n`;
  for (let i = 0; i < n; i++) {
    const row = [
      t[i],
      ...p_WBo_W.subarray(3 * i, 3 * i + 3),
      ...quat_WB.subarray(4 * i, 4 * i + 4),
      ...angles.subarray(na * i, na * (i + 1)),
    ];
    yield `${row.map((x) => numberCell(x, style)).join(',')}\n`;
  }
}
