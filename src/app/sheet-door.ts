/** A line for the open estimate sheet: given by one part of the page, put in by the part that has the sheets. */

/** Of the names that the sheet has already, the line. */
type SheetLine = (taken: ReadonlySet<string>) => string;
/** Gives the title of the sheet that the line is in now. */
type SheetTaker = (line: SheetLine) => Promise<string>;

export interface SheetDoor {
  readonly give: SheetTaker;
  serve(taker: SheetTaker): void;
}

export function createSheetDoor(): SheetDoor {
  let take: SheetTaker | undefined;
  return {
    give: (line) => (take ? take(line) : Promise.reject(new Error('no sheet'))),
    serve: (taker) => {
      take = taker;
    },
  };
}
