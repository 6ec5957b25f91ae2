#!/usr/bin/env bash
# The laws over drawn and damaged input, with TIMES as many seeds as verify runs (20 where it is not given): fuzz.sh [TIMES]
set -euo pipefail
here=$(cd "$(dirname "$(readlink -f "$0")")/.." && pwd)
cd "$here"
. scripts/java-home.sh
laws=AnyBankLawTest,ParsersLawTest,TasksLawTest,AnyFileLawTest,ServerLawIT,ServeLawIT,CommandsLawIT,JobCommandsLawIT,JobFoldersLawIT,StateFilesLawIT,SameBankLawIT
exec mvn -B -q --no-transfer-progress -Dquick -pl core,report,server,cli test \
  -Dtest="$laws" -Dsurefire.failIfNoSpecifiedTests=false -Dvarwright.fuzz.times="${1:-20}" --fail-at-end
