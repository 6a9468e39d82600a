/** What Why opens on: of a twisting somersault where its tilt came from, of a turn about one axis who carries the momentum about that axis. */
import type { FirstStory } from '../../app/first-rows.ts';
import type { AxisName } from './axis-momentum.ts';

export const WHY_TABS = ['tilt', 'map', 'sight', 'momentum'] as const;
export type WhyTab = (typeof WHY_TABS)[number];

interface WhyOpening {
  readonly tab: WhyTab;
  readonly axis: AxisName;
}

export const whyOpening = (story: FirstStory): WhyOpening =>
  story.kind === 'oneAxis' ? { tab: 'momentum', axis: story.axis } : { tab: 'tilt', axis: 'long' };
