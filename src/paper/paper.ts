/** What is printed and kept as a picture, for who asks: flights as paper takes them, and pages of SVG made of them. */
import { cueHasRoom, drawCard, mostPoints } from './card.ts';
import { viewPose } from './card-figures.ts';
import { chooseInstants } from './card-instants.ts';
import { bandsOf, greyPng } from './grey-png.ts';
import { textWidth } from './letter-widths.ts';
import { isBeyondLatin } from './page-svg.ts';
import { offerPaperCues } from './paper-cues.ts';
import { makePaperFlight } from './paper-flight.ts';
import { originMark, originOf } from './paper-origin.ts';
import { drawPicture } from './picture.ts';
import { equalTimes } from './picture-times.ts';
import { drawPlan } from './plan-page.ts';
import { drawReport } from './report.ts';
import { resultLine } from './result-line.ts';
import { makeSheetFigures } from './sheet-figures.ts';
import { makeSheetPage } from './sheet-page.ts';
import { paperTexts, pictureFoot } from './words.ts';

export const paper = {
  makeFlight: makePaperFlight,
  offerCues: offerPaperCues,
  cueHasRoom,
  chooseInstants,
  viewPose,
  card: drawCard,
  mostPoints,
  equalTimes,
  picture: drawPicture,
  sheetFigures: makeSheetFigures,
  sheetPage: makeSheetPage,
  plan: drawPlan,
  report: drawReport,
  originMark,
  originOf,
  resultLine,
  pictureFoot,
  cardFoot: paperTexts.card.foot,
  isBeyondLatin,
  textWidth,
  greyPng,
  bandsOf,
};

export type Paper = typeof paper;
