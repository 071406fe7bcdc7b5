/** How long the generated tests go on: `npm test` tries a few of each, `npm run test:deep` thousands. */
export const deep = process.env.SEEDBED_DEEP === '1';
export const times = (usual: number, whole: number): number => (deep ? whole : usual);
