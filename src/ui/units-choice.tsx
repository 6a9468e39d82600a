/** The choice of units. */
import { Choice } from './choice.tsx';
import { type MeasureSystem, setUnits, type Turning, units } from './units.ts';
import { unitTexts } from './words.ts';

const measures: readonly MeasureSystem[] = ['metric', 'imperial'];
const turnings: readonly Turning[] = ['revolutions', 'degrees'];

export function UnitChoice() {
  return (
    <>
      <Choice
        legend={unitTexts.lengths}
        names={measures}
        words={unitTexts.measures}
        chosen={units().measure}
        choose={(measure) => setUnits({ measure })}
      />
      <Choice
        legend={unitTexts.turns}
        names={turnings}
        words={unitTexts.turnings}
        chosen={units().turning}
        choose={(turning) => setUnits({ turning })}
      />
    </>
  );
}
