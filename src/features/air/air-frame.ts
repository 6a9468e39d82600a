/** Where the parts of the tool are, px. The time column is the page's; at its left are inputs, at its right the side view, where there is room. */
import type { ToolProps } from '../../app/tool.ts';

export interface AirFrame {
  readonly device: ToolProps['device'];
  readonly width: number;
  readonly height: number;
  /** the time picture, and the rows under it */
  readonly timeX: number;
  readonly timeWidth: number;
  /** 0: it has no column of its own */
  readonly sideWidth: number;
  /** height over the floor; 0: the pictures are away */
  readonly picture: number;
  readonly pxPerM: number;
}

/** px a metre: no more than this, and no less where the side view follows the cursor instead. */
const MOST = { bench: 100, tablet: 64, phone: 48 } as const;
const LARGE = 120;
const LEAST = { bench: 34, tablet: 24, phone: 12 } as const;
/** px: a side view in less shows nothing */
const LEAST_SIDE = 200;
/** px of the choice of the view, where there is one at a time */
const TABS = 44;
/** of a figure over its mass centre, m */
const HEADROOM = 1.05;

/** `top`: the highest mass centre, m; `across`: what the side view must hold, m. */
export function makeFrame(
  { device, width, height, timeLeft, axis, pictures = 0 }: ToolProps,
  top: number,
  across: number,
): AirFrame {
  const isBench = device === 'bench';
  const beside = width - timeLeft - axis.width;
  const sideWidth = beside < LEAST_SIDE ? 0 : beside;
  const picture = Math.max(0, pictures - (sideWidth > 0 ? 0 : TABS));
  const most = isBench && width > 1600 ? LARGE : MOST[device];
  const tall = Math.min(most, (picture - 8) / (top + HEADROOM));
  const pxPerM = Math.max(
    LEAST[device],
    Math.min(tall, Math.max(tall * 0.62, (sideWidth || width) / Math.max(across, 1))),
  );
  return { device, width, height, timeX: timeLeft, timeWidth: axis.width, sideWidth, picture, pxPerM };
}
