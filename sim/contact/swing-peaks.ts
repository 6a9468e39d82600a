/** Size and place of the peaks of a swing, by a parabola through the largest sample and its neighbours. */
import type { SwingColumns, SwingJoint, SwingPeak, SwingPeaks } from './swing.ts';

export function findPeaks(c: SwingColumns, joints: readonly SwingJoint[], shown: number): SwingPeaks {
  const top = (values: Float64Array): SwingPeak => peakOf(values, c, shown);
  const bend = new Float64Array(shown);
  for (let i = 0; i < shown; i++) bend[i] = Math.hypot(c.railX[i], c.railY[i]);
  return {
    grip: top(c.grip),
    gripWeights: top(c.gripWeights),
    felt: top(c.felt),
    feltHead: top(c.feltHead),
    bend: top(bend),
    rate: top(c.rate),
    speed: top(c.speed),
    effort: joints.map((joint) => {
      // faster than any strength is known for there is no share of it
      const share = joint.needed.map((x, i) => (joint.most[i] > 0 ? Math.abs(x) / joint.most[i] : 0));
      return { ...top(share), joint: joint.name };
    }),
  };
}

function peakOf(values: Float64Array, { t, angle }: SwingColumns, shown: number): SwingPeak {
  let i = 0;
  for (let k = 1; k < shown; k++) if (values[k] > values[i]) i = k;
  if (i === 0 || i >= shown - 1) return { value: values[i], t: t[i], angle: angle[i] };
  const [a, b, d] = [values[i - 1], values[i], values[i + 1]];
  const curve = a - 2 * b + d;
  const s = curve < 0 ? (a - d) / (2 * curve) : 0;
  const step = t[i + 1] - t[i];
  return {
    value: b - ((a - d) * s) / 4,
    t: t[i] + s * step,
    angle: angle[i] + (s * (angle[i + 1] - angle[i - 1])) / 2,
  };
}
