/** Columns that are one axis of a point, by their names: "LELB x", "LELB_X", "LELB.x", "X1", "x LELB", "comx". */

interface PointColumn {
  readonly point: string;
  readonly axis: 0 | 1 | 2;
}

/** With x, y, z behind them they are a velocity, a force and such like, and no place. */
const NO_PLACE = /(?:^|[\s_.-])(?:v|w|h|a|q|f|tau|vel|velocity|acc|acceleration|gyro|omega|force|moment|grf)$/i;

const axisOf = (letter: string): 0 | 1 | 2 => 'xyz'.indexOf(letter.toLowerCase()) as 0 | 1 | 2;

export function pointColumn(name: string): PointColumn | undefined {
  const numbered = /^([xyz])[\s_]?(\d{1,4})$/i.exec(name);
  if (numbered) return { point: numbered[2], axis: axisOf(numbered[1]) };
  const behind =
    /^(.*[^\s_.:-])[\s_.:-]+\(?([xyz])\)?$/i.exec(name) ??
    /^(.*[^\s_.:-])([xyz])$/.exec(name) ??
    /^(.*[A-Z\d])([XYZ])$/.exec(name);
  if (behind) return NO_PLACE.test(behind[1]) ? undefined : { point: behind[1], axis: axisOf(behind[2]) };
  const before = /^([xyz])[\s_.:-]+(.*\S)$/i.exec(name);
  return before ? { point: before[2], axis: axisOf(before[1]) } : undefined;
}
