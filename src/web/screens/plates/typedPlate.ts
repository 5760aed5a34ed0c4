import type { PlateJson } from '#core/plate/plateFromJson.ts';
import { answer, api } from '../../api.ts';
import { portionJson, type TypedPortion, typedPortion } from './typedPortion.ts';

type CompanionJson = NonNullable<PlateJson['companions']>[number];

/** A companion as the form holds it: the food with its label as the plate keeps it, and its portion. */
export interface CompanionEntry {
  readonly key: string;
  readonly food: CompanionJson['food'];
  readonly withoutSalt?: CompanionJson['food'];
  readonly portion: TypedPortion;
}

/** A plate as the form holds it. */
export interface TypedPlate {
  readonly title: string;
  readonly portion: TypedPortion;
  readonly companions: readonly CompanionEntry[];
  readonly categories: readonly string[];
}

export function typedPlate(plate: PlateJson | undefined): TypedPlate {
  const companions = plate?.companions ?? [];
  return {
    title: plate?.title ?? '',
    portion: typedPortion(plate?.portion),
    categories: plate?.categories ?? [],
    companions: companions.map(({ food, portion, withoutSalt }) => ({
      key: crypto.randomUUID(),
      food,
      portion: typedPortion(portion),
      ...(withoutSalt === undefined ? {} : { withoutSalt }),
    })),
  };
}

export function plateOf(id: string, { title, portion, companions, categories }: TypedPlate): PlateJson & { readonly id: string } {
  return {
    id,
    title,
    portion: portionJson(portion),
    companions: companions.map(({ food, withoutSalt, portion: own }) => ({
      food,
      portion: portionJson(own),
      ...(withoutSalt === undefined ? {} : { withoutSalt }),
    })),
    ...(categories.length === 0 ? {} : { categories }),
  };
}

/** A food of the shelf as a plate keeps it: its label travels with the plate. */
export async function companionFood(id: string): Promise<CompanionEntry['food']> {
  const food = await answer(api.foods[':id'].$get({ param: { id } }));
  const label = food.history.find(({ stands }) => stands)?.printed ?? { panel: {} };
  return {
    id,
    name: food.name,
    label,
    ...(food.gramsPerMeasure === undefined ? {} : { gramsPerMeasure: food.gramsPerMeasure }),
    ...(food.densityGPerMl === undefined ? {} : { densityGPerMl: food.densityGPerMl }),
  };
}
