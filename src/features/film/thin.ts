/** A long curve as a path of a screen: at most two points a px, its least and its greatest, so that no spike is lost. */
interface CurvePlace {
  readonly x: (t: number) => number;
  readonly y: (v: number) => number;
}

/** `values[i]` at `t[i]`; where one is not known the curve breaks. */
export function curvePath(t: ArrayLike<number>, values: ArrayLike<number>, { x, y }: CurvePlace): string {
  const n = t.length;
  let d = '';
  let isOn = false;
  const put = (i: number): void => {
    d += `${isOn ? 'L' : 'M'}${x(t[i]).toFixed(1)} ${y(values[i]).toFixed(1)}`;
    isOn = true;
  };
  let i = 0;
  while (i < n) {
    if (!Number.isFinite(values[i])) {
      isOn = false;
      i++;
      continue;
    }
    const px = Math.floor(x(t[i]));
    let [least, most, end] = [i, i, i];
    while (end + 1 < n && Number.isFinite(values[end + 1]) && Math.floor(x(t[end + 1])) === px) {
      end++;
      if (values[end] < values[least]) least = end;
      if (values[end] > values[most]) most = end;
    }
    if (end - i < 2) for (let k = i; k <= end; k++) put(k);
    else for (const k of [...new Set([i, Math.min(least, most), Math.max(least, most), end])]) put(k);
    i = end + 1;
  }
  return d;
}

/** Dots of single values, at most one a px and a height of a px. */
export function dotPath(t: ArrayLike<number>, values: ArrayLike<number>, { x, y }: CurvePlace): string {
  let d = '';
  let last = '';
  for (let i = 0; i < t.length; i++) {
    if (!Number.isFinite(values[i])) continue;
    const at = `M${Math.round(x(t[i]))} ${Math.round(y(values[i]))}h0`;
    if (at !== last) d += at;
    last = at;
  }
  return d;
}
