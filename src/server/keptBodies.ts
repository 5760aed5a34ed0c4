import { z } from '@hono/zod-openapi';
import { plateSchema } from '#core/plate/plateFromJson.ts';
import { yardstickSchema } from '#core/yardstick/yardstickFromJson.ts';
import { list } from './bodies.ts';
import { edgeAnswer } from './edge.ts';

export const versionedPlate = z
  .object({
    plate: edgeAnswer(plateSchema, 'PlateJson'),
    version: z.number(),
    isBuiltIn: z.boolean(),
    isDemo: z.boolean(),
    portionText: z.string(),
    companionsText: z.string(),
  })
  .openapi('VersionedPlate');

export const versionedYardstick = z
  .object({
    yardstick: edgeAnswer(yardstickSchema, 'YardstickJson'),
    version: z.number(),
    isBuiltIn: z.boolean(),
    /** Each test in words, with why its bound is what it is. */
    tests: list(z.object({ id: z.string(), text: z.string(), source: z.string(), isOff: z.boolean() })),
  })
  .openapi('VersionedYardstick');
