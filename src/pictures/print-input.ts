/** What the print sheet is handed: who draws its picture and who writes the frames. */
import type { FlightResult } from '../engine/result.ts';
import type { PrintInput } from '../scene/print-scene.ts';

export type PrintRequest = Pick<PrintInput, 'spans' | 'plots' | 'width' | 'airHeight' | 'marks' | 'seconds'>;

export interface PrintedPicture {
  /** the inside of an svg element; colours are custom properties named as the tokens */
  readonly markup: string;
  readonly width: number;
  readonly height: number;
  readonly isCompressed: boolean;
}

export interface PrintPictures {
  draw(result: FlightResult, request: PrintRequest): PrintedPicture;
  /** where the sheet is from, name and mass of the athlete in its digest: not for what is handed on */
  sheetOrigin(result: FlightResult): string;
  readonly tokens: Readonly<Record<string, string>>;
  /** CSV at 240 frames a second */
  formatFrames(result: FlightResult): string;
}
