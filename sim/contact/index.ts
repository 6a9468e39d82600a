/** What loadContact() brings: the planar phases at the bar and on the ground, with their engine. */
export {
  bodyAnglesInto,
  type Chain,
  type ChainJoint,
  type ChainLink,
  type ChainOptions,
  type ChainPoint,
  DEFAULT_JOINTS,
  jointAnglesOf,
  makeChain,
  type PlanarJointName,
} from './chain.ts';
export {
  type ChainMotion,
  jointsInto,
  makeChainMotion,
  makeWhole,
  type Placement,
  placeChain,
  pointInto,
  type Whole,
  wholeInto,
} from './chain-motion.ts';
export { ChainWorld } from './planck.ts';
