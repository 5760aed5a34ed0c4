import '@fontsource-variable/atkinson-hyperlegible-next/index.css';
import './tokens.css';
import './ground.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRootRoute, createRoute, createRouter, lazyRouteComponent, RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Frame } from './Frame.tsx';
import { keepDoor } from './lock/keepDoor.ts';
import { type FoodSearch, foodSearch } from './screens/food/foodSearch.ts';
import { type SurveySearch, surveySearch } from './screens/survey/surveySearch.ts';
import { applyTheme } from './theme.ts';
import { listenForShortcuts } from './ui/action/offered.ts';

applyTheme();
listenForShortcuts();

const root = createRootRoute({ component: Frame });
const survey = createRoute({
  getParentRoute: () => root,
  path: '/',
  validateSearch: (search): SurveySearch => surveySearch(search),
  component: lazyRouteComponent(() => import('./screens/survey/Survey.tsx'), 'SurveyScreen'),
});
const foods = createRoute({
  getParentRoute: () => root,
  path: '/foods',
  validateSearch: (search: Record<string, unknown>): { search?: string; category?: string } => ({
    ...(typeof search.search === 'string' ? { search: search.search } : {}),
    ...(typeof search.category === 'string' ? { category: search.category } : {}),
  }),
  component: lazyRouteComponent(() => import('./screens/foods/Foods.tsx'), 'FoodsScreen'),
});
const food = createRoute({
  getParentRoute: () => root,
  path: '/foods/$foodId',
  validateSearch: (search): FoodSearch => foodSearch(search),
  component: lazyRouteComponent(() => import('./screens/food/Food.tsx'), 'FoodScreen'),
});
const plates = createRoute({
  getParentRoute: () => root,
  path: '/plates',
  component: lazyRouteComponent(() => import('./screens/plates/Plates.tsx'), 'PlatesScreen'),
});
const yardsticks = createRoute({
  getParentRoute: () => root,
  path: '/yardsticks',
  component: lazyRouteComponent(() => import('./screens/yardsticks/Yardsticks.tsx'), 'YardsticksScreen'),
});
const clients = createRoute({
  getParentRoute: () => root,
  path: '/clients',
  component: lazyRouteComponent(() => import('./screens/clients/Clients.tsx'), 'ClientsScreen'),
});
const client = createRoute({
  getParentRoute: () => root,
  path: '/clients/$clientId',
  component: lazyRouteComponent(() => import('./screens/clients/Client.tsx'), 'ClientScreen'),
});
const calculators = createRoute({
  getParentRoute: () => root,
  path: '/calculators',
  component: lazyRouteComponent(() => import('./screens/calculators/Calculators.tsx'), 'CalculatorsScreen'),
});
const calculator = createRoute({
  getParentRoute: () => root,
  path: '/calculators/$name',
  component: lazyRouteComponent(() => import('./screens/calculators/Calculator.tsx'), 'CalculatorScreen'),
});
const guides = createRoute({
  getParentRoute: () => root,
  path: '/guides',
  validateSearch: (search): SurveySearch => surveySearch(search),
  component: lazyRouteComponent(() => import('./screens/guides/Guides.tsx'), 'GuidesScreen'),
});
const guide = createRoute({
  getParentRoute: () => root,
  path: '/guides/$guideId',
  component: lazyRouteComponent(() => import('./screens/guides/Guide.tsx'), 'GuideScreen'),
});
const handout = createRoute({
  getParentRoute: () => root,
  path: '/handouts/$handoutId',
  component: lazyRouteComponent(() => import('./screens/handouts/TopicHandout.tsx'), 'TopicHandoutScreen'),
});
const data = createRoute({
  getParentRoute: () => root,
  path: '/data',
  component: lazyRouteComponent(() => import('./screens/data/Data.tsx'), 'DataScreen'),
});
const pieces = createRoute({
  getParentRoute: () => root,
  path: '/pieces',
  component: lazyRouteComponent(() => import('./screens/pieces/Pieces.tsx'), 'PiecesScreen'),
});

const router = createRouter({
  routeTree: root.addChildren([
    survey,
    foods,
    food,
    plates,
    yardsticks,
    clients,
    client,
    guides,
    guide,
    handout,
    calculators,
    calculator,
    data,
    pieces,
  ]),
  defaultPreload: 'intent',
});
declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}

const queries = new QueryClient({ defaultOptions: { queries: { retry: false, refetchOnWindowFocus: true, staleTime: 2_000 } } });

const page = createRoot(document.getElementById('root')!);
keepDoor(queries, () => page.unmount());
page.render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
