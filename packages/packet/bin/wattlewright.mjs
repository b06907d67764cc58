#!/usr/bin/env node
// Committed so that the link exists before the first build; the work is in dist/main.js.
import '../dist/main.js';
