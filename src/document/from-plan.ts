/**
 * The plan as a document tree, in the order in which a person reads it.
 * Sections without anything to say vanish, heading and all. No number is worked out here.
 */
import type { Root } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { assumptionsSection } from './assumptions-section.js';
import { cautionsSection } from './cautions-section.js';
import { findingsSection } from './findings-section.js';
import { glanceSection } from './glance-section.js';
import { notDoneSection } from './not-done-section.js';
import { outlookSection } from './outlook-section.js';
import { partsSection } from './parts-section.js';
import { referencesOf } from './references.js';
import { shoppingSection } from './shopping-section.js';
import { signsSection } from './signs-section.js';
import { sourcesSection } from './sources-section.js';
import { stepsSection } from './steps-section.js';
import { titleSection } from './title-section.js';
import { verdictSection } from './verdict-section.js';
import { wateringSection } from './watering-section.js';

const SECTIONS = [
  titleSection,
  findingsSection,
  signsSection,
  verdictSection,
  glanceSection,
  partsSection,
  cautionsSection,
  shoppingSection,
  stepsSection,
  wateringSection,
  outlookSection,
  assumptionsSection,
  notDoneSection,
  sourcesSection,
] as const;

export function documentOf(plan: Plan): Root {
  const references = referencesOf(plan);
  return { type: 'root', children: SECTIONS.flatMap((section) => section(plan, references)) };
}
