/**
 * From where the unrolled flight is seen: from the side; but where nothing travels and nothing somersaults, and so a side view would tell
 * nothing that the ruler does not, from in front or from behind, from where the face is seen while the shape is tightest.
 */
import type { StageFlight } from './pose-frames.ts';
import { backView, frontView, sideView, type View } from './view.ts';

/** m/s along, and rad of somersault, under which a flight goes nowhere. */
const STILL = { along: 0.2, somersault: 0.5 } as const;

export function flightView({ v_WScm_W0, ghosts, duration }: StageFlight): View {
  const first = ghosts[0];
  const last = ghosts[ghosts.length - 1];
  const isStill =
    Math.abs(v_WScm_W0[0]) < STILL.along &&
    first !== undefined &&
    Math.abs(last.somersault - first.somersault) < STILL.somersault;
  if (!isStill) return sideView(v_WScm_W0[0]);
  // the middle of the air is where it is seen first and longest
  const middle = ghosts.reduce((a, b) => (Math.abs(b.t - duration / 2) < Math.abs(a.t - duration / 2) ? b : a));
  return middle.R_WF[0] >= 0 ? frontView : backView;
}
