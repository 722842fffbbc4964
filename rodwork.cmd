@echo off
rem Starts Rodwork on Windows. Alone it opens the bench on the demo cast; "rodwork.cmd help" lists what else it does.
rem Builds whatever is stale first. Needs a JDK 25 or newer, Maven, and Node for the bench.
setlocal
powershell -NoProfile -ExecutionPolicy Bypass -File "%~dp0scripts\build.ps1" %1
if errorlevel 1 exit /b 69
set /p RODWORK_JDK=<"%~dp0app\target\jdk.txt"
set "RODWORK_TARGET=%~dp0app\target"
set "RODWORK_CACHE="
if exist "%RODWORK_TARGET%\rodwork.aot" set RODWORK_CACHE="-XX:AOTCache=%RODWORK_TARGET%\rodwork.aot" -Xlog:disable -Xlog:all=error:stderr
chcp 65001 >nul
"%RODWORK_JDK%\bin\java" -XX:+UseParallelGC -XX:MaxRAMPercentage=50 -Djava.awt.headless=true "-Drodwork.home=%~dp0." "-Drodwork.kept=%RODWORK_TARGET%\kept" %RODWORK_CACHE% -jar "%RODWORK_TARGET%\rodwork.jar" %*
exit /b %errorlevel%
