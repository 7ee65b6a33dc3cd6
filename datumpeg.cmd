@echo off
rem Starts Datumpeg without Maven. Builds it first when nothing is built yet or a source is newer than
rem what was built. Own messages go to standard error. Why each Java option is there:
rem docs\decisions\launcher.md.
setlocal DisableDelayedExpansion
set "home=%~dp0"
set "home=%home:~0,-1%"
set "jar=%home%\desktop-ui\target\datumpeg.jar"

if defined JAVA_HOME (
  set "java=%JAVA_HOME%\bin\java.exe"
) else (
  set "java="
  for %%j in (java.exe) do set "java=%%~$PATH:j"
)
if not defined java (
  echo Java was not found; Datumpeg needs a JDK of version 17 or newer, on the PATH or named by JAVA_HOME.>&2
  exit /b 3
)
if not exist "%java%" (
  echo JAVA_HOME names "%JAVA_HOME%", but no Java was found there. Set it to a JDK of version 17 or newer.>&2
  exit /b 3
)

set "reason="
if not exist "%jar%" (
  set "reason=nothing is built yet"
) else (
  powershell -NoProfile -Command "$built = (Get-Item -LiteralPath $env:jar).LastWriteTime; $sources = Get-ChildItem -Recurse -File -Path ($env:home + '\pom.xml'), ($env:home + '\*\pom.xml'), ($env:home + '\*\src\main'), ($env:home + '\sample-readings') -ErrorAction SilentlyContinue; if ($sources | Where-Object LastWriteTime -gt $built | Select-Object -First 1) { exit 1 }"
  if errorlevel 1 set "reason=a source is newer than what was built"
)
if not defined reason goto start
where mvn >nul 2>nul
if errorlevel 1 (
  echo Datumpeg must be built first ^(%reason%^), and Maven was not found on the PATH.>&2
  exit /b 3
)
echo Building Datumpeg, because %reason%.>&2
pushd "%home%"
call mvn -B -q -Dquick package >&2 <nul
set "status=%errorlevel%"
popd
if not "%status%"=="0" (
  echo The build failed; Maven's messages above say why.>&2
  exit /b 3
)

:start
set "options=-Dfile.encoding=UTF-8 -Dsun.stdout.encoding=UTF-8 -Xshare:auto"
set "collector=-XX:+UseSerialGC"
if /i "%~1"=="desktop" set "collector=-XX:+UseG1GC -XX:MaxGCPauseMillis=15 -XX:GCTimeRatio=1"
set "options=%options% -XX:TieredStopAtLevel=1 %collector%"
if /i "%~1"=="collect" set "options=%options% -Xmx48m"
set "folder=%home%\desktop-ui\target\native\org\sqlite\native\Windows\x86_64"
if exist "%folder%\sqlitejdbc.dll" (
  "%java%" %options% "-Dorg.sqlite.lib.path=%folder%" -Dorg.sqlite.lib.name=sqlitejdbc.dll -jar "%jar%" %*
) else (
  "%java%" %options% -jar "%jar%" %*
)
exit /b %errorlevel%
