/** Where a page of paper is from, of what is made on the page. */
import { type Provenance, provenanceSvg, type SkillFile } from '../../sim/index.ts';
import { handedProvenanceOf } from '../engine/provenance.ts';
import type { FlightResult } from '../engine/result.ts';
import { paperTexts } from './words.ts';

/** `file`: as it is handed on */
export const originOf = (result: FlightResult, file: SkillFile): Provenance =>
  handedProvenanceOf(result, paperTexts.report.call, file);

/** As an element of an SVG. */
export const originMark = (result: FlightResult, file: SkillFile): string => provenanceSvg(originOf(result, file));
