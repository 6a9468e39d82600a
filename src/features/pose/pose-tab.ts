/** Which page of the large posing stage is open: shapes, angles, the shape at the cursor. */
import { createSignal } from 'solid-js';
import { keptState } from '../../app/page.ts';

export const POSE_TABS = ['shapes', 'angles', 'held'] as const;
type PoseTab = (typeof POSE_TABS)[number];

const makePoseTab = () => createSignal<PoseTab>('shapes');
export const usePoseTab = keptState(makePoseTab);
