import { Tooltip } from 'radix-ui';
import { lazy, Suspense, useEffect, useState } from 'react';
import { Link, Route, Switch } from 'wouter';
import type { PlantStore } from '../engine/plant-store.ts';
import { Walk } from '../walk/walk.tsx';
import { PlantProvider, usePlantState } from './plant-context.tsx';
import { PrintedHead } from './printed-head.tsx';
import { TitleBar } from './title-bar.tsx';
import { Unreadable } from './unreadable.tsx';

const PlantView = lazy(async () => ({ default: (await import('../plant/plant-view.tsx')).PlantView }));
const PointView = lazy(async () => ({ default: (await import('../point/point-view.tsx')).PointView }));
const MachineView = lazy(async () => ({ default: (await import('../machine/machine-view.tsx')).MachineView }));
const FindingsView = lazy(async () => ({ default: (await import('../findings/findings-view.tsx')).FindingsView }));
const WorkingsView = lazy(async () => ({ default: (await import('../workings/workings-view.tsx')).WorkingsView }));
const CatalogueView = lazy(async () => ({ default: (await import('../catalogue/catalogue-view.tsx')).CatalogueView }));

const IssueView = lazy(async () => ({ default: (await import('../issue/issue-view.tsx')).IssueView }));
const RehearsalView = lazy(async () => ({ default: (await import('../rehearsal/rehearsal-view.tsx')).RehearsalView }));
const AcceptanceView = lazy(async () => ({
  default: (await import('../acceptance/acceptance-view.tsx')).AcceptanceView,
}));

/** The workbench: a title bar as on an engineering sheet, and one view of the plant below it. */
export function App({ store }: { readonly store: PlantStore }) {
  const [failed, setFailed] = useState<string>();
  useEffect(() => {
    store.open().catch((error: unknown) => setFailed(error instanceof Error ? error.message : String(error)));
  }, [store]);
  if (failed !== undefined) return <Unreadable title="The plant could not be opened" message={failed} />;
  return (
    <PlantProvider store={store}>
      <Tooltip.Provider delayDuration={300}>
        <Sheet />
      </Tooltip.Provider>
    </PlantProvider>
  );
}

function Sheet() {
  const { plant, refused } = usePlantState();
  if (plant === undefined && refused !== undefined) {
    return <Unreadable title="The plant file cannot be read" message={refused} />;
  }
  return (
    <>
      <a className="skip" href="#view">
        Skip to the view
      </a>
      <TitleBar />
      <PrintedHead />
      {refused === undefined ? undefined : (
        <Unreadable title="The file was changed and cannot be read" message={refused} />
      )}
      <main id="view" tabIndex={-1}>
        {plant === undefined ? (
          <p className="waiting">Reading the plant…</p>
        ) : (
          <Suspense fallback={<p className="waiting">Opening…</p>}>
            <Switch>
              <Route path="/" component={PlantView} />
              <Route path="/machine/:machine">{({ machine }) => <MachineView name={decoded(machine)} />}</Route>
              <Route path="/point/:machine/:point">
                {({ machine, point }) => <PointView of={`${decoded(machine)}/${decoded(point)}`} />}
              </Route>
              <Route path="/point/:machine/:point/rehearsal">
                {({ machine, point }) => <RehearsalView of={`${decoded(machine)}/${decoded(point)}`} />}
              </Route>
              <Route path="/point/:machine/:point/acceptance">
                {({ machine, point }) => <AcceptanceView of={`${decoded(machine)}/${decoded(point)}`} />}
              </Route>
              <Route path="/acceptance">{() => <AcceptanceView of={undefined} />}</Route>
              <Route path="/findings" component={FindingsView} />
              <Route path="/issue" component={IssueView} />
              <Route path="/workings">{() => <WorkingsView name={undefined} />}</Route>
              <Route path="/workings/:name">{({ name }) => <WorkingsView name={name} />}</Route>
              <Route path="/catalogue">{() => <CatalogueView part={undefined} />}</Route>
              <Route path="/catalogue/:part">{({ part }) => <CatalogueView part={decoded(part)} />}</Route>
              <Route>
                <h1>There is no such view</h1>
                <p>
                  <Link href="/">Back to the plant</Link>
                </p>
              </Route>
            </Switch>
          </Suspense>
        )}
      </main>
      <Walk />
    </>
  );
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
