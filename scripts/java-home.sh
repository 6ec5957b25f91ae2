# Sourced by ./varwright and ./verify: sets JAVA_HOME to a JDK 21 or later, or says what to install and exits 2.
# Order: JAVA_HOME if it will do, the javac on the PATH, then the usual places, newest first.

varwright_jdk_version() {
  [ -x "$1/bin/javac" ] && [ -r "$1/release" ] && sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$1/release"
}

varwright_find_jdk() {
  local candidate version best="" best_version=0 on_path
  if [ -n "${JAVA_HOME:-}" ]; then
    version=$(varwright_jdk_version "$JAVA_HOME")
    if [ "${version:-0}" -ge 21 ]; then
      echo "$JAVA_HOME"
      return
    fi
  fi
  on_path=$(command -v javac || true)
  [ -n "$on_path" ] && on_path=$(dirname "$(dirname "$(readlink -f "$on_path")")")
  for candidate in "$on_path" /usr/lib/jvm/* /opt/java/* /opt/jdk* "$HOME"/.sdkman/candidates/java/* "$HOME"/.jdks/* /Library/Java/JavaVirtualMachines/*/Contents/Home; do
    version=$(varwright_jdk_version "$candidate")
    if [ "${version:-0}" -ge 21 ] && [ "$version" -gt "$best_version" ]; then
      best=$candidate
      best_version=$version
    fi
  done
  echo "$best"
}

JAVA_HOME=$(varwright_find_jdk)
if [ -z "$JAVA_HOME" ]; then
  echo "varwright: no JDK 21 or later found (JAVA_HOME, PATH and the usual places were searched); install one, such as the Debian package openjdk-21-jdk or a Temurin JDK, or set JAVA_HOME" >&2
  exit 2
fi
export JAVA_HOME
