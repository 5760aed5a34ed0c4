import { Link } from '@tanstack/react-router';
import { Empty } from '../ui/page/Empty.tsx';
import { Page } from '../ui/page/Page.tsx';

export function NoSuchPage() {
  return (
    <Page title="There is no such page">
      <Empty>
        <p>
          The address leads nowhere. Look whether it is spelled right, choose a screen of the workbench, or{' '}
          <Link to="/" search={{}}>
            begin with the survey
          </Link>
          .
        </p>
      </Empty>
    </Page>
  );
}
