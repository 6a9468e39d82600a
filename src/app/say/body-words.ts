/** Parts and joints of a body in words. In one place, ready for translation. */
import { own } from '../../../sim/math/own.ts';
import { sideOf } from '../../../sim/math/side.ts';

const angleWords: Record<string, string> = {
  neckFlexion: 'Neck bend',
  neckSideBend: 'Neck side bend',
  neckTurn: 'Neck turn',
  thoracicFlexion: 'Chest bend',
  thoracicSideBend: 'Chest side bend',
  thoracicTurn: 'Chest turn',
  lumbarFlexion: 'Waist bend',
  lumbarSideBend: 'Waist side bend',
  lumbarTurn: 'Waist turn',
  shoulderPlane: 'arm plane',
  shoulderElevation: 'arm raise',
  shoulderTurn: 'arm turn',
  elbowFlexion: 'elbow bend',
  forearmPronation: 'forearm turn',
  wristFlexion: 'wrist bend',
  hipFlexion: 'hip pike',
  hipAbduction: 'leg spread',
  hipTurn: 'leg turn',
  kneeFlexion: 'knee bend',
  anklePlantarFlexion: 'toe point',
};
const bothWords: Record<string, string> = {
  shoulderPlane: 'Arm plane',
  shoulderElevation: 'Arm raise',
  shoulderTurn: 'Arm turn',
  elbowFlexion: 'Elbow bend',
  forearmPronation: 'Forearm turn',
  wristFlexion: 'Wrist bend',
  hipFlexion: 'Hip pike',
  hipAbduction: 'Leg spread',
  hipTurn: 'Leg turn',
  kneeFlexion: 'Knee bend',
  anklePlantarFlexion: 'Toe point',
};
const partWords: Record<string, string> = {
  pelvis: 'pelvis',
  middleTrunk: 'belly',
  upperTrunk: 'chest',
  head: 'head',
  upperArm: 'upper arm',
  forearm: 'forearm',
  hand: 'hand',
  thigh: 'thigh',
  shank: 'shank',
  foot: 'foot',
};
/** at the beginning of a sentence */
const firstPartWords: Record<string, string> = {
  pelvis: 'Pelvis',
  middleTrunk: 'Belly',
  upperTrunk: 'Chest',
  head: 'Head',
};

export function wordPart(name: string): string {
  const whole = own(partWords, name);
  if (whole) return whole;
  const word = own(partWords, name.slice(0, -1));
  return word ? `${name.endsWith('L') ? 'left' : 'right'} ${word}` : name;
}

/** The same at the beginning of a sentence. */
export function wordFirstPart(name: string): string {
  const word = own(partWords, name.slice(0, -1));
  return own(firstPartWords, name) ?? (word ? `${name.endsWith('L') ? 'Left' : 'Right'} ${word}` : name);
}

export function wordJoint(name: string): string {
  const side = sideOf(name);
  const stem = side && own(bothWords, name.slice(0, -1)) ? name.slice(0, -1) : name;
  const word = own(angleWords, stem);
  if (!word) return name;
  if (side && stem !== name) return `${side === 'L' ? 'Left' : 'Right'} ${word}`;
  return own(bothWords, name) ?? word;
}
