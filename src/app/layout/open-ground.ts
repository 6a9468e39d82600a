/** What only open rows need, as one chunk: the calm bench starts without it. */
export { JointKeys, JointTitles } from './joint-rows.tsx';
export { OpenCut, OpenTitles } from './open-rows.tsx';
export { ShapeLinks } from './shape-links.tsx';
export { UnderViews } from './under-views.tsx';
