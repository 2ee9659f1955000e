#!/usr/bin/env node
console.log("duskline: the command line has no commands yet.");
