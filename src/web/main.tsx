import '@fontsource-variable/atkinson-hyperlegible-next/index.css';
import './tokens.css';
import './ground.css';
import { notifyManager, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRootRoute, createRoute, createRouter, lazyRouteComponent, RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Frame } from './Frame.tsx';
import { keepDoor } from './lock/keepDoor.ts';
import { askAgainWhenHeard } from './program/askAgain.ts';
import { BrokenScreen } from './program/BrokenScreen.tsx';
import { loaded } from './program/loaded.ts';
import { NoSuchPage } from './program/NoSuchPage.tsx';
import { type FoodSearch, foodSearch } from './screens/food/foodSearch.ts';
import { type SurveySearch, surveySearch } from './screens/survey/surveySearch.ts';
import { applyTheme } from './theme.ts';
import { listenForShortcuts } from './ui/action/offered.ts';
import { Reading } from './ui/page/Reading.tsx';

applyTheme();
listenForShortcuts();

const root = createRootRoute({ component: Frame });
const survey = createRoute({
  getParentRoute: () => root,
  path: '/',
  validateSearch: (search): SurveySearch => surveySearch(search),
  component: lazyRouteComponent(
    loaded(() => import('./screens/survey/Survey.tsx')),
    'SurveyScreen',
  ),
});
const foods = createRoute({
  getParentRoute: () => root,
  path: '/foods',
  validateSearch: (search: Record<string, unknown>): { search?: string; category?: string } => ({
    ...(typeof search.search === 'string' ? { search: search.search } : {}),
    ...(typeof search.category === 'string' ? { category: search.category } : {}),
  }),
  component: lazyRouteComponent(
    loaded(() => import('./screens/foods/Foods.tsx')),
    'FoodsScreen',
  ),
});
const food = createRoute({
  getParentRoute: () => root,
  path: '/foods/$foodId',
  validateSearch: (search): FoodSearch => foodSearch(search),
  component: lazyRouteComponent(
    loaded(() => import('./screens/food/Food.tsx')),
    'FoodScreen',
  ),
});
const plates = createRoute({
  getParentRoute: () => root,
  path: '/plates',
  component: lazyRouteComponent(
    loaded(() => import('./screens/plates/Plates.tsx')),
    'PlatesScreen',
  ),
});
const yardsticks = createRoute({
  getParentRoute: () => root,
  path: '/yardsticks',
  component: lazyRouteComponent(
    loaded(() => import('./screens/yardsticks/Yardsticks.tsx')),
    'YardsticksScreen',
  ),
});
const clients = createRoute({
  getParentRoute: () => root,
  path: '/clients',
  component: lazyRouteComponent(
    loaded(() => import('./screens/clients/Clients.tsx')),
    'ClientsScreen',
  ),
});
const client = createRoute({
  getParentRoute: () => root,
  path: '/clients/$clientId',
  component: lazyRouteComponent(
    loaded(() => import('./screens/clients/Client.tsx')),
    'ClientScreen',
  ),
});
const calculators = createRoute({
  getParentRoute: () => root,
  path: '/calculators',
  component: lazyRouteComponent(
    loaded(() => import('./screens/calculators/Calculators.tsx')),
    'CalculatorsScreen',
  ),
});
const calculator = createRoute({
  getParentRoute: () => root,
  path: '/calculators/$name',
  component: lazyRouteComponent(
    loaded(() => import('./screens/calculators/Calculator.tsx')),
    'CalculatorScreen',
  ),
});
const guides = createRoute({
  getParentRoute: () => root,
  path: '/guides',
  validateSearch: (search): SurveySearch => surveySearch(search),
  component: lazyRouteComponent(
    loaded(() => import('./screens/guides/Guides.tsx')),
    'GuidesScreen',
  ),
});
const guide = createRoute({
  getParentRoute: () => root,
  path: '/guides/$guideId',
  component: lazyRouteComponent(
    loaded(() => import('./screens/guides/Guide.tsx')),
    'GuideScreen',
  ),
});
const handout = createRoute({
  getParentRoute: () => root,
  path: '/handouts/$handoutId',
  component: lazyRouteComponent(
    loaded(() => import('./screens/handouts/TopicHandout.tsx')),
    'TopicHandoutScreen',
  ),
});
const data = createRoute({
  getParentRoute: () => root,
  path: '/data',
  component: lazyRouteComponent(
    loaded(() => import('./screens/data/Data.tsx')),
    'DataScreen',
  ),
});
const pieces = createRoute({
  getParentRoute: () => root,
  path: '/pieces',
  component: lazyRouteComponent(
    loaded(() => import('./screens/pieces/Pieces.tsx')),
    'PiecesScreen',
  ),
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
  defaultPendingComponent: Reading,
  defaultErrorComponent: BrokenScreen,
  defaultNotFoundComponent: NoSuchPage,
});
declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}

// The program is on this computer: it answers also where the browser takes itself for offline.
const networkMode = 'always';
const queries = new QueryClient({
  defaultOptions: { queries: { networkMode, retry: false, refetchOnWindowFocus: true, staleTime: 2_000 }, mutations: { networkMode } },
});
// A button that was pressed is busy before the next press is handled, so that nothing is sent twice.
notifyManager.setScheduler(queueMicrotask);

const page = createRoot(document.getElementById('root')!);
keepDoor(queries, () => page.unmount());
askAgainWhenHeard(queries);
page.render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
