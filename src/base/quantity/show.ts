/** Numbers as they are shown back to whoever typed them. */

/** The value without the dust that binary arithmetic leaves after the twelfth digit. */
export function clean(value: number): number {
  return Number(value.toPrecision(12));
}

/** A value of up to four digits as it is; anything longer to three digits, or to the whole number if larger. */
export function shown(value: number): string {
  const cleaned = clean(value);
  if (Number(cleaned.toPrecision(4)) === cleaned && Math.abs(cleaned) >= 0.001) return String(cleaned);
  if (cleaned === 0) return '0';
  const decimals = 2 - Math.floor(Math.log10(Math.abs(cleaned)));
  return cleaned.toFixed(Math.min(20, Math.max(0, decimals)));
}
