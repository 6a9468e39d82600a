/** Words of a scene on a 2D canvas, as stamps: the canvas itself never sets a font. */
import type { PutText } from '../render/stage-renderer.ts';
import { getStamp, putStamp, stampLeft } from '../ui/plot/stamp.ts';

const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

export const putText: PutText = (g, { text, x, y, anchor }, { font, colour, halo, ratio }) => {
  const stamp = getStamp(text, font, colour, halo, ratio, 1);
  if (stamp) putStamp(g, stamp, stampLeft(stamp, x, ALIGN[anchor]), y - stamp.baseline, ratio);
};
