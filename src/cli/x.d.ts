import type { Metres } from '#basis/units.ts';
export type X = Metres;
