// Biome lints and formats everything; ESLint only knows what Biome does not: Solid's rules of reactivity.
import solid from 'eslint-plugin-solid/configs/typescript';
import { parser } from 'typescript-eslint';

export default [
  { ignores: ['dist/**', 'dist-cli/**', 'dist-package/**', 'tests/shots-out/**', 'tests/browser-out/**'] },
  {
    ...solid,
    files: ['src/**/*.tsx'],
    languageOptions: { parser },
    rules: {
      ...solid.rules,
      // ours that run what they are handed in an effect, or when a hand moves
      'solid/reactivity': ['warn', { customReactiveFunctions: ['drawOnFrame', 'startScrub'] }],
    },
  },
];
