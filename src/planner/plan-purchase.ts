/** What of a plan has to do with the shop, the purse and the water bill. */
export interface PlanShoppingLine {
  readonly materialId: string;
  readonly title: string;
  readonly kind: 'buy' | 'hire' | 'tool';
  readonly lookFor: string;
  /** Litres of soil, not of a liquid. */
  readonly loose: boolean;
  /**
   * Null for a tool, or where the amount is on a label. The same number as at the steps; `toBuy` is what the packs
   * cover: more than that for soil and seed, by what the measuring may be out, and the same for a product.
   */
  readonly need: {
    readonly amount: number;
    readonly unit: 'g' | 'mL' | 'L' | 'm2' | 'h' | 'each';
    readonly toBuy: number;
    /** Whether a label says how much is the most. */
    readonly basis: 'label' | 'reckoned';
  } | null;
  /** Besides what is in the shed: the packs together hold at least what is then missing to `toBuy`. */
  readonly packs: readonly {
    readonly size: number;
    readonly unit: string;
    readonly count: number;
    readonly price: number | null;
  }[];
  /** A person's own packs, or common sizes that no shop is held to; null where there are none. */
  readonly packsAre: 'yours' | 'typical' | null;
  readonly leftOver: number | null;
  /** Of the packs, the hire or the piece, in the person's currency; null where no price is known. */
  readonly cost: number | null;
  /** What is in the shed already, in the unit of the need; pieces for a tool. */
  readonly have: number | null;
  /** Hire or buy, a pack too heavy to lift, a stock that falls short. */
  readonly note: string | null;
  readonly forSteps: readonly string[];
}

/** What the packs weigh together, for whoever fetches them. */
export interface PlanHaul {
  readonly kg: number;
  /** What an ordinary car takes beside its driver. */
  readonly carKg: number;
  readonly trips: number;
  /** Goods that also come by lorry, in one bulk bag of so much; none where one trip will do. */
  readonly bulk: readonly {
    readonly materialId: string;
    readonly title: string;
    readonly size: number;
    readonly need: number;
    readonly unit: string;
    readonly loose: boolean;
  }[];
  /** The same in sentences. */
  readonly says: readonly string[];
}

export interface PlanBudget {
  readonly limit: number;
  /** Null where nothing has a price; then nothing is said to fit. */
  readonly total: number | null;
  /** Materials on the list without a price. */
  readonly unpriced: readonly string[];
  readonly over: number | null;
  /** In the order in which to leave them out, until the list fits. */
  readonly leaveOut: readonly {
    readonly stepId: string;
    readonly title: string;
    readonly saves: number;
    /** What that costs the result. */
    readonly loses: string;
  }[];
  /** What else to do where nothing can be left out and the list does not fit. */
  readonly otherwise: string | null;
}

/** All the water of the plan, L, and its cost where a price of water is known; it is on no shop's bill. */
export interface PlanWater {
  /** Of the watering table, as it reaches the ground on dry days. */
  readonly litres: number;
  /** The same less the rain of a normal year; null where no rain is known. */
  readonly litresAfterRain: number | null;
  /** What has to be run for the dry days by the means answered. */
  readonly drawnLitres: number;
  /** What single steps pour besides. */
  readonly stepLitres: number;
  /** Of table and steps; null without a price. */
  readonly cost: number | null;
  readonly costAfterRain: number | null;
  /** What days and litres mean where the lawn is sown part by part; null for one go. */
  readonly eachPart: string | null;
  /** What goes before the table, in sentences. */
  readonly says: readonly string[];
  /** What goes with the cost of the shopping; null without a price. */
  readonly costSays: string | null;
}
