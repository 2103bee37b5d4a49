/** The tables that a campaign can be read and written as. */
import { defineTable, type TableDefinition } from './table-definition.ts';

export const CAMPAIGN_TABLES: readonly TableDefinition[] = [
  defineTable({
    id: 'objectives',
    title: 'Objectives',
    about: 'What somebody wants done, by rank.',
    nodes: ['objective'],
    children: ['tasks'],
  }),
  defineTable({
    id: 'tasks',
    title: 'Tasks and inserts',
    about: 'Packages of work, by rank, and the EVAs that they may fall in.',
    nodes: ['task', 'insert'],
  }),
  defineTable({
    id: 'hardware',
    title: 'Hardware',
    about: 'Pieces, their kind, where they are and how they stand at the start.',
    nodes: ['hardware'],
  }),
  defineTable({
    id: 'crew',
    title: 'Crew',
    about: 'Who takes part; their pace, suit limit, tether and hooks.',
    nodes: ['person'],
  }),
  defineTable({
    id: 'suits',
    title: 'Suit figures',
    about: 'Constants of each suit, as its maker states them.',
    nodes: ['constant'],
    isInside: true,
  }),
  defineTable({
    id: 'windows',
    title: 'Sky and other windows',
    about: 'When something holds: stated, or computed from the orbit.',
    nodes: ['window'],
  }),
  defineTable({
    id: 'durations',
    title: 'Durations',
    about: 'Minutes of each stint: likely, and one time in ten less or more.',
    nodes: ['stint'],
    children: ['minutes'],
    isInside: true,
  }),
  defineTable({
    id: 'evidence',
    title: 'Evidence for durations',
    about: 'Timed runs, each with where and by whom.',
    nodes: ['sample'],
    isInside: true,
  }),
  defineTable({
    id: 'requests',
    title: 'Requests',
    about: 'What is asked of the vehicle, its owner and its status.',
    nodes: ['request'],
  }),
  defineTable({
    id: 'places',
    title: 'Places',
    about: 'Where a person can be.',
    nodes: ['place'],
    children: ['position', 'seen-from'],
    isInside: true,
  }),
  defineTable({
    id: 'rails',
    title: 'Rails',
    about: 'Ways between places, hand over hand.',
    nodes: ['rail'],
    isInside: true,
  }),
];
