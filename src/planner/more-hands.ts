/** What another pair of hands would change: the work of a season saved. */
import { formatKnown, type KnownTo } from '../base/dates.js';
import { plainNumber } from '../base/quantity-words.js';
import type { View } from '../interview/reasons.js';
import type { Pack } from '../rules/pack.js';
import { type Dating, SOWINGS } from './dating.js';
import { worded, wordedInside } from './explain-words.js';
import type { Plan, PlanStep } from './plan.js';
import { answered } from './steps.js';

/** In words, with the answer that leads to that plan where it is one that can be given. */
export function soonerOf(
  sooner: Dating['sooner'],
  steps: readonly PlanStep[],
  { pack, scope, datesKnownTo }: View & Pick<Plan, 'datesKnownTo'>,
): Plan['sooner'] {
  const later = steps.find(({ id }) => SOWINGS.includes(id))?.startOn;
  if (sooner === undefined || later === undefined) return null;
  const { people, sowOn } = sooner;
  const present = scope('facts.people');
  const says = worded(pack, 'handsSooner', {
    now: peopleIn(pack, present.known ? (present.value as number) : 1),
    people: peopleIn(pack, people),
    sooner: dayIn(sowOn, datesKnownTo),
    later: dayIn(later, datesKnownTo),
  });
  const question = pack.questionById.get('hoursPerDay');
  const hours = Number(answered(scope, 'hoursPerDay')) * people;
  const most = question?.bounds?.oddAbove ?? question?.bounds?.max;
  if (question === undefined || most === undefined || !(hours <= most)) return { people, sowOn, says };
  const { label } = question;
  return {
    people,
    sowOn,
    says: `${says} ${worded(pack, 'handsHours', { label, hours: plainNumber(hours) })}`,
  };
}

const peopleIn = (pack: Pack, count: number): string =>
  count === 1
    ? wordedInside(pack, 'onePerson')
    : wordedInside(pack, 'manyPeople', { count: plainNumber(count) });

const dayIn = (day: PlanStep['startOn'], knownTo: KnownTo): string =>
  formatKnown(day, knownTo).replace(/^\w+day /, '');
