/** Words of the ruler: time, play, surfaces. */
export const floorTexts = {
  label: 'Time in the flight',
  controls: 'Play and move through the flight',
  play: 'Play',
  pause: 'Pause',
  back: 'One hundredth back',
  on: 'One hundredth on',
  speed: 'Speed of play',
  speeds: { '0.25': '¼ speed', '0.5': '½ speed', '1': 'real time' } as Record<string, string>,
  time: (s: string) => `${s} seconds`,
  surfaces: {
    floor: 'sprung floor',
    mat: 'mat',
    trampoline: 'trampoline bed',
    water: 'water',
    other: 'surface',
  } as Record<string, string>,
};
