/** The flight of a worksheet's own skill, for its picture: apart from the document, each heavy step in a task of its own. */
import { type Accessor, createResource } from 'solid-js';
import type { Worksheet } from '../../../sim/index.ts';
import { usePage } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { Paper } from '../../paper/paper.ts';
import type { PaperFlight } from '../../paper/paper-flight.ts';
import { nextTask } from '../../ui/frame.ts';

export interface SheetFlight {
  readonly paper: Paper;
  readonly result: FlightResult;
  readonly flight: PaperFlight;
}

export type SheetFlightState = Accessor<SheetFlight | { readonly reason: string } | undefined>;

export function useSheetFlight(skill: Accessor<Worksheet['skill'] | undefined>): SheetFlightState {
  const { services } = usePage();
  const [found] = createResource(skill, async (given) => {
    const { flying } = services;
    try {
      const paper = await services.load.paper();
      // of a chain its first flight
      const file = flying.legs.fileOf(given, 0);
      await flying.ready(file);
      await nextTask();
      const result = flying.fly(file);
      await nextTask();
      return { paper, result, flight: paper.makeFlight(result) };
    } catch (error) {
      return { reason: wordFault(error) };
    }
  });
  return found;
}
