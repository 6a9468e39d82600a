/** Where the parts of the tool are, px from its left and upper edge. On a laptop: inputs, time column, side view; under the band rows or cards, and what belongs to the side view. */
import type { ToolProps } from '../../app/tool.ts';

export interface AirFrame {
  readonly device: ToolProps['device'];
  readonly width: number;
  readonly height: number;
  /** of the column of inputs; 0 where they are elsewhere */
  readonly inputs: number;
  /** the time picture, and the rows under it; its own left margin has the names of heights */
  readonly timeX: number;
  readonly timeWidth: number;
  /** 0: it has no column of its own */
  readonly sideWidth: number;
  readonly picture: number;
  readonly band: number;
  readonly strip: number;
  readonly pxPerM: number;
}

/** px a metre: no more than this, and no less where the side view follows the cursor instead. */
const MOST = { bench: 80, tablet: 55, phone: 40 } as const;
const LARGE = 120;
const LEAST = { bench: 34, tablet: 24, phone: 12 } as const;
/** px: the longest name, its value and its unit in one line */
const INPUTS = 204;
/** of a figure over its mass centre, m */
const HEADROOM = 1.05;

/** `top`: the highest mass centre, m; `across`: what the side view must hold, m. */
export function makeFrame(
  { device, width, height }: Pick<ToolProps, 'device' | 'width' | 'height'>,
  top: number,
  across: number,
): AirFrame {
  const isBench = device === 'bench';
  const inputs = isBench ? INPUTS : 0;
  const sideWidth = isBench
    ? Math.round(Math.min(520, Math.max(400, width * 0.317)))
    : device === 'tablet'
      ? Math.round(width * 0.383)
      : 0;
  const room = isBench ? height * 0.49 : height * (device === 'tablet' ? 0.41 : 0.34);
  const most = isBench && width > 1600 ? LARGE : MOST[device];
  const tall = Math.min(most, (room - 8) / (top + HEADROOM));
  const pxPerM = Math.max(
    LEAST[device],
    Math.min(tall, Math.max(tall * 0.62, (sideWidth || width) / Math.max(across, 1))),
  );
  return {
    device,
    width,
    height,
    inputs,
    timeX: inputs,
    timeWidth: width - inputs - sideWidth,
    sideWidth,
    picture: Math.round(Math.min(room, (top + HEADROOM) * pxPerM + 26)),
    band: isBench ? 34 : device === 'tablet' ? 48 : 44,
    strip: 22,
    pxPerM,
  };
}
