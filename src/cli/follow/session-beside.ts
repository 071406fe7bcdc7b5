/** Where the answers behind a saved plan lie: beside it, under its name. */
export const sessionBeside = (planPath: string, count = 1): string =>
  `${planPath.replace(/\.(?:md|markdown|json)$/i, '')}${count === 1 ? '' : `-${count}`}.session.json`;
