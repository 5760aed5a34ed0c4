import type { Plate, PlateFood } from './plate.ts';
import type { PlateJson } from './plateFromJson.ts';

/** A plate as docs/formats.md writes it: its companions with their labels as printed, so that they are read by the program that opens it. */
export function plateToJson({ id, title, portion, companions, categories }: Plate): PlateJson {
  return {
    id,
    title,
    portion,
    companions: companions.map(({ food, portion: own, withoutSalt }) => ({
      food: foodToJson(food),
      portion: own,
      ...(withoutSalt === undefined ? {} : { withoutSalt: foodToJson(withoutSalt) }),
    })),
    ...(categories === undefined ? {} : { categories }),
  };
}

function foodToJson({ id, name, label, densityGPerMl, gramsPerMeasure }: PlateFood): PlateFoodJson {
  return {
    id,
    name,
    label: label.printed,
    ...(densityGPerMl === undefined ? {} : { densityGPerMl }),
    ...(gramsPerMeasure === undefined ? {} : { gramsPerMeasure }),
  };
}

type PlateFoodJson = NonNullable<PlateJson['companions']>[number]['food'];
