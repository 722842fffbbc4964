# Finds the JDK and builds what is stale; the Windows sister of jdk.sh and build.sh.
param([string]$Command = "bench")
$ErrorActionPreference = "Stop"
$root = Split-Path $PSScriptRoot
$target = Join-Path $root "app\target"
New-Item -ItemType Directory -Force $target | Out-Null

function Fail($text) { [Console]::Error.WriteLine($text); exit 1 }

function Find-Jdk {
  $onPath = Get-Command javac -ErrorAction SilentlyContinue
  $places = @($env:JAVA_HOME)
  if ($onPath) { $places += Split-Path (Split-Path $onPath.Source) }
  foreach ($folder in "$env:ProgramFiles\Eclipse Adoptium", "$env:ProgramFiles\Java", "$env:ProgramFiles\Microsoft",
    "$env:ProgramFiles\Zulu", "$env:ProgramFiles\Amazon Corretto", "$env:USERPROFILE\.jdks") {
    if (Test-Path $folder) { $places += (Get-ChildItem $folder -Directory).FullName }
  }
  foreach ($place in $places) {
    if (-not $place) { continue }
    $release = Join-Path $place "release"
    if ((Test-Path $release) -and (Test-Path (Join-Path $place "bin\javac.exe"))) {
      if ((Get-Content $release -Raw) -match 'JAVA_VERSION="(\d+)' -and [int]$Matches[1] -ge 25) { return $place }
    }
  }
  Fail "Rodwork needs a JDK 25 or newer and found none in JAVA_HOME, on PATH or in the usual folders. Install one, or set JAVA_HOME to it."
}

# Whether any file under the sources is newer than the stamp, or the stamp is missing.
function Is-Stale($stamp, $sources) {
  if (-not (Test-Path $stamp)) { return $true }
  $time = (Get-Item $stamp).LastWriteTimeUtc
  foreach ($source in $sources | Where-Object { Test-Path $_ }) {
    $newer = Get-ChildItem $source -Recurse -Force | Where-Object { $_.LastWriteTimeUtc -gt $time } | Select-Object -First 1
    if ($newer -or (Get-Item $source).LastWriteTimeUtc -gt $time) { return $true }
  }
  return $false
}

function Run($folder, $what, [string[]]$arguments) {
  $log = Join-Path $target "build.log"
  Push-Location $folder
  # Native tools write to stderr without having failed; their exit code alone counts.
  $ErrorActionPreference = "Continue"
  & $what @arguments *> $log
  $code = $LASTEXITCODE
  $ErrorActionPreference = "Stop"
  Pop-Location
  if ($code -ne 0) {
    Get-Content $log -Tail 40 | ForEach-Object { [Console]::Error.WriteLine($_) }
    Fail "The build failed; the whole log is in $log."
  }
}

$jdk = Find-Jdk
Set-Content -Path (Join-Path $target "jdk.txt") -Value $jdk -Encoding Default

$web = Join-Path $root "web"
if (($Command -eq "bench" -or $Command.StartsWith("--") -or (Test-Path $Command -PathType Leaf)) -and (Test-Path "$web\package.json")) {
  $index = "$web\dist\index.html"
  if (Is-Stale $index @("$web\src", "$web\public", "$web\index.html", "$web\package.json", "$web\package-lock.json", "$web\vite.config.ts")) {
    if (-not (Get-Command npm -ErrorAction SilentlyContinue)) { Fail "Building the bench needs Node 20 or newer with npm." }
    [Console]::Error.WriteLine("Building the bench ...")
    $env:PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD = "1"
    if (Is-Stale "$web\node_modules\.package-lock.json" @("$web\package-lock.json")) { Run $web "npm" @("ci", "--no-audit", "--no-fund") }
    Run $web "npm" @("run", "build")
    (Get-Item $index).LastWriteTime = Get-Date
  }
}

$stamp = Join-Path $target "rodwork.built"
$sources = @("$root\pom.xml")
foreach ($module in "geometry", "rules", "anatomy", "survey", "demo", "app") {
  $sources += "$root\$module\pom.xml", "$root\$module\src\main"
}
if (-not (Test-Path "$target\rodwork.jar") -or (Is-Stale $stamp $sources)) {
  if (-not (Get-Command mvn -ErrorAction SilentlyContinue)) { Fail "Building Rodwork needs Maven (the command mvn)." }
  [Console]::Error.WriteLine("Building Rodwork ...")
  $begun = Get-Date
  Remove-Item "$target\rodwork.aot", "$target\kept" -Recurse -Force -ErrorAction SilentlyContinue
  $env:JAVA_HOME = $jdk
  Run $root "mvn" @("-q", "-B", "package", "-pl", "app", "-am", "-DskipTests", "-Dspotless.check.skip=true")
  New-Item -ItemType Directory -Force "$target\kept" | Out-Null
  # Without the cache Java starts all the same, only slower: a rehearsal that fails does no harm.
  $ErrorActionPreference = "Continue"
  & "$jdk\bin\java" "-XX:+UseParallelGC" "-XX:MaxRAMPercentage=50" "-Djava.awt.headless=true" "-Drodwork.home=$root" `
    "-Drodwork.kept=$target\kept" "-XX:AOTCacheOutput=$target\rodwork.aot" -jar "$target\rodwork.jar" rehearse *> "$target\build.log"
  if ($LASTEXITCODE -ne 0) { Remove-Item "$target\rodwork.aot" -Force -ErrorAction SilentlyContinue }
  Set-Content -Path $stamp -Value "built"
  (Get-Item $stamp).LastWriteTime = $begun
}
exit 0
