import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';

/** Every formula with its description: they come with the program, so one look is enough. */
export function useFormulas() {
  return useQuery({
    queryKey: ['formulas'],
    queryFn: () => answer(api.formulas.$get()),
    staleTime: Number.POSITIVE_INFINITY,
  });
}
