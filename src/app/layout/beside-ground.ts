/** What the rows of two ways of a skill need, as one chunk: it comes with the question. */
export { OtherShapes } from '../../features/ruler/other-shapes.tsx';
export { drawBesideMoment, drawBesideMomentum, drawBesideRate } from '../plot/beside-drawers.ts';
export { BesideKey } from './beside-key.tsx';
export { BesideList } from './beside-list.tsx';
export { BesideNames, BesideRowNames } from './beside-names.tsx';
export { speakTwo } from './beside-spoken.ts';
export { BesideThree } from './beside-three.tsx';
