import { expose } from 'comlink';
import { IssueEngine } from './issue-engine.ts';

expose(new IssueEngine());
