/** Reads temperatures: `10`, `50 F`, `-2 °C`. */
import { celsiusFromFahrenheit } from '../units.js';
import { readNumber } from './number.js';
import { parse } from './readings.js';
import { type Parsed, unclear } from './result.js';

const ABSOLUTE_ZERO_C = -273.15;
const TEMPERATURE = /^(.*?\d)\s*(?:°|degrees?|deg)?\s*(c|celsius|centigrade|f|fahrenheit)?$/;

/**
 * A temperature in degrees Celsius.
 *
 * @param typed as typed
 * @param defaultUnit scale of a number that names none
 */
export function parseTemperature(typed: string, defaultUnit: 'C' | 'F' = 'C'): Parsed<'C'> {
  return parse(typed, 'C', (text) => {
    const [, figure, scale] = TEMPERATURE.exec(text) ?? [];
    const number = figure === undefined ? undefined : readNumber(figure);
    if (!number?.ok) return unclear('That is not a temperature. Type it like 10 C or 50 F.');
    const unit = scale === undefined ? defaultUnit : scale.startsWith('f') ? 'F' : 'C';
    const value = unit === 'F' ? celsiusFromFahrenheit(number.value) : number.value;
    if (value < ABSOLUTE_ZERO_C) return unclear('Nothing is that cold.');
    return { ok: true, value, echo: `${number.echo} ${unit}` };
  });
}
