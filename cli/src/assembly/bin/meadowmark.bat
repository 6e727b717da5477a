@echo off
rem Starts Meadowmark from wherever this file is called.
setlocal
set "HOME_DIR=%~dp0.."
if defined JAVA_HOME (
  set "JAVA_EXE=%JAVA_HOME%\bin\java.exe"
  if not exist "%JAVA_HOME%\bin\java.exe" (
    echo error: JAVA_HOME is %JAVA_HOME%, but there is no bin\java.exe in it; correct it or unset it 1>&2
    exit /b 1
  )
) else (
  set "JAVA_EXE=java.exe"
  where java.exe >nul 2>nul
  if errorlevel 1 (
    echo error: Java was not found; install Java 17 or newer, or set JAVA_HOME 1>&2
    exit /b 1
  )
)
"%JAVA_EXE%" -XX:MaxRAMPercentage=70 -XX:+UseParallelGC -Djava.awt.headless=true %MEADOWMARK_JAVA_OPTS% -jar "%HOME_DIR%\lib\cli.jar" %*
exit /b %ERRORLEVEL%
