/**
 * A step of the build: pixi.js registers its loaders, sprite sheets, masks and environments as it is imported, and with them
 * comes code that no picture of ours needs. pixi-renderer.ts registers what is used; this drops the rest.
 */
import type { Plugin } from 'vite';

const DROPPED = [
  "import './rendering/init.mjs';",
  "import './spritesheet/init.mjs';",
  'extensions.add(browserExt, webworkerExt);',
];

export function pixiPlugin(): Plugin {
  return {
    name: 'shapeflight-pixi',
    apply: 'build',
    transform: {
      filter: { id: /[\\/]pixi\.js[\\/]lib[\\/]index\.mjs$/ },
      handler(code) {
        for (const line of DROPPED) {
          if (!code.includes(line))
            throw new Error(`pixi.js no longer says "${line}": look again at what it registers.`);
          code = code.replace(line, '');
        }
        return { code, moduleSideEffects: false, map: null };
      },
    },
  };
}
